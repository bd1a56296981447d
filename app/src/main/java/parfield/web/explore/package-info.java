/**
 * The step Explore: the light of any rig, live. The server computes the light of each channel at
 * full output; dials are weighted sums in the browser.
 */
package parfield.web.explore;
