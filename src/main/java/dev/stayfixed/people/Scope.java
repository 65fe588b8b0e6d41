package dev.stayfixed.people;

import java.util.Set;

/** What a token lets a program do. None may change who may do what. */
public enum Scope {
    READ,
    /** For a dongle, a telematics service, a phone: what it sends is all it can do. */
    DRIVES,
    WORK;

    public Set<Right> rights() {
        return switch (this) {
            case READ -> Set.of(Right.READ);
            case DRIVES -> Set.of(Right.DRIVES);
            case WORK -> Set.of(Right.READ, Right.DRIVES, Right.WORK);
        };
    }
}
