package dev.stayfixed.recording;

/** Takes the rows of a log in their order. */
interface RowSink {

    /** The last one may have been cut off in the middle. */
    void read(LogRow row, boolean last);
}
