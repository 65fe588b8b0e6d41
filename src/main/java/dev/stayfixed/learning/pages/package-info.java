/**
 * The pages of what the shop learns. Open {@link dev.stayfixed.learning.pages.LearningPage} first. A leaf: may know every room, and no room knows it.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.learning.pages;
