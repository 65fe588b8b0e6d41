package dev.stayfixed.people;

import java.time.Instant;
import java.util.UUID;

/** A person as a member of a shop. */
public record Member(Person person, UUID shop, Role role, Instant since) {}
