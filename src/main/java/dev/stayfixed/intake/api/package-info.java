/**
 * The REST interface of drives and logs. Open {@link dev.stayfixed.intake.api.DriveController} first. A leaf: may know every room, and no room knows it.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.intake.api;
