/** Who may come in: hosts, origins, pairing, sessions, and what every answer must carry. */
package parfield.web.door;
