/**
 * The pages of open jobs. Open {@link dev.stayfixed.worklist.pages.FirstPage} first. A leaf: may know every room, and no room knows it.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.worklist.pages;
