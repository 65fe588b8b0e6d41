package dev.stayfixed.people;

/** What an address may ask of whoever comes to it. */
public enum Right {
    /** To see what the shop has. */
    READ,
    /** To send drives in, and nothing else. */
    DRIVES,
    /** To open, change and close jobs. */
    WORK,
    /** To say who may do what, whom the service tells, and how. */
    OWN
}
