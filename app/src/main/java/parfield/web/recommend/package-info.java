/** The step Recommend: demands, the search in the background, what it found and what that takes. */
package parfield.web.recommend;
