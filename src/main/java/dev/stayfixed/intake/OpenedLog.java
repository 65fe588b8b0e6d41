package dev.stayfixed.intake;

import dev.stayfixed.recording.LogMapping;

/** A stored log that can be read. */
record OpenedLog(UploadedLog bytes, String mediaType, LogMapping mapping) {}
