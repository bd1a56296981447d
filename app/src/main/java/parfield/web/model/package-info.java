/** The step Model: fitting the light model, and what it found. */
package parfield.web.model;
