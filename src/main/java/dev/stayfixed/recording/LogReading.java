package dev.stayfixed.recording;

/** A log that was read as the reader itself proposed. */
public record LogReading(Proposal proposal, LogReport report) {}
