/**
 * The REST interface of what the shop learns. Open {@link dev.stayfixed.learning.api.LearningController} first. A leaf: may know every room, and no room knows it.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.learning.api;
