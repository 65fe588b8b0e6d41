package dev.stayfixed.archive;

import org.springframework.core.io.InputStreamSource;

/** A log as it was sent. */
public record SentLog(String mediaType, InputStreamSource bytes) {}
