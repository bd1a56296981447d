/** The step Set up: the bench's setup and the files beside it. */
package parfield.web.setup;
