package dev.stayfixed.customer;

import dev.stayfixed.reason.Kind;

/** What is wrong with an address that goes on paper. */
public enum AddressDoubt implements Kind {
    THIS_MACHINE_ONLY,
    NO_HTTPS
}
