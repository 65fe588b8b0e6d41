/**
 * The pages of drives and logs. Open {@link dev.stayfixed.intake.pages.DrivePage} first. A leaf: may know every room, and no room knows it.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.intake.pages;
