package dev.stayfixed.telling;

/** Published in the transaction that wrote an event about a job, for the channels to add what they will deliver. */
public record EventWritten(Event event, Story story) {}
