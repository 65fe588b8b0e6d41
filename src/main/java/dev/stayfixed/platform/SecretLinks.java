package dev.stayfixed.platform;

import java.util.Optional;
import java.util.UUID;

/** A kind of links that open a page to whoever has them, whether signed in or not: the token in the address names the shop. */
public interface SecretLinks {

    /** What stands before the token: "d" in /d/{token}. */
    String under();

    /**
     * The shop that gave the link, also where it has ended; empty where there never was one.
     *
     * @param token of any form
     */
    Optional<UUID> shopOf(String token);
}
