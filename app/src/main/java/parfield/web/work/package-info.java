/** Work in the background: fits, searches and counts that outlive the page that asked for them. */
package parfield.web.work;
