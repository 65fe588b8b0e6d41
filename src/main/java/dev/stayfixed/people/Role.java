package dev.stayfixed.people;

import java.util.Set;

/** What a person is in a shop. */
public enum Role {
    READER,
    TECHNICIAN,
    OWNER;

    public Set<Right> rights() {
        return switch (this) {
            case READER -> Set.of(Right.READ);
            case TECHNICIAN -> Set.of(Right.READ, Right.DRIVES, Right.WORK);
            case OWNER -> Set.of(Right.READ, Right.DRIVES, Right.WORK, Right.OWN);
        };
    }
}
