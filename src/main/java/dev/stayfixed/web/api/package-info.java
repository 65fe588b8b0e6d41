/**
 * The REST interface under /api/v1. Requests and answers have records of their own; nothing of the inside is serialised as it is.
 * Open {@link dev.stayfixed.web.api.JobController} first. May depend on everything but the rows behind {@code jobs} and
 * {@code intake}, which are hidden.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.web.api;
