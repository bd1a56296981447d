/** The page Care: daily program, dose, homes, steps, power, calendar. */
package parfield.web.care;
