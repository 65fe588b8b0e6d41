package dev.stayfixed.platform;

import java.util.UUID;

/** Who makes the request that is at work. */
public interface WhoAsks {

    /** For which shop. */
    UUID shop();

    /** As it is written down beside what was done. */
    String name();

    /** Whether they can answer for what only somebody who stands before the car knows: a driver and a device cannot. */
    boolean vouches();
}
