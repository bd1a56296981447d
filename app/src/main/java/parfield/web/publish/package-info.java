/** The step Publish: what can be carried out of a bench. */
package parfield.web.publish;
