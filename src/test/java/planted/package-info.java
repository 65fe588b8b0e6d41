/** Breaks every rule of the architecture once, so that each rule is seen to bite. Not part of the service. */
package planted;
