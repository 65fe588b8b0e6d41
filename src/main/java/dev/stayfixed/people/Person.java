package dev.stayfixed.people;

import java.util.UUID;

/**
 * Somebody who may use the service.
 *
 * @param mail in lower case; nobody else has it
 */
public record Person(UUID id, String mail, String name) {}
