package dev.stayfixed.simulator;

/** How a scan tool writes answers down. */
public enum Layout {
    /** 11-bit CAN identifiers, length or frame byte, frames filled to eight bytes. */
    CAN_HEADERS,
    /** As above, without spaces. */
    CAN_HEADERS_CLOSE,
    /** 29-bit CAN identifiers. */
    CAN_29_HEADERS,
    /** Requests with ">" and joined answers without headers. */
    HEADERLESS,
    /** Joined answers without headers, requests or spaces. */
    HEADERLESS_CLOSE,
    /** Before CAN (ISO 9141-2, SAE J1850): three header bytes and a checksum, no count in code lists, seven bytes at most. */
    OLDER_HEADERS,
    /** As above, without header and checksum. */
    OLDER_HEADERLESS;

    boolean isOlder() {
        return this == OLDER_HEADERS || this == OLDER_HEADERLESS;
    }
}
