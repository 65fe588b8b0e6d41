package dev.stayfixed.archive;

import dev.stayfixed.recording.LogMapping;

/** A stored log that can be read. */
record OpenedLog(UploadedLog bytes, String mediaType, LogMapping mapping) {}
