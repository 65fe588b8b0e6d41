/**
 * What every REST leaf shares: the description of the interface, links, pages of lists, and what needs no stored row: reading a scan or a
 * code, the rule sets. Requests and answers have records of their own; nothing of the inside is serialised as it is. Open {@link
 * dev.stayfixed.web.api.ApiDescription} first.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.web.api;
