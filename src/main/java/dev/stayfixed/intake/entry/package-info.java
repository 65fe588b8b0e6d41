/** What people and programs write of how logs are read, in one record with its limits. A drive itself is written as {@link dev.stayfixed.archive.DriveSubmission}. */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.intake.entry;
