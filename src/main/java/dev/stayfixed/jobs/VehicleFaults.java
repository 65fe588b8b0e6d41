package dev.stayfixed.jobs;

import java.util.List;

/**
 * Every fault of every job of a vehicle, closed jobs too: a fault can come back after the close.
 *
 * @param cases as they are judged
 * @param conditions that were agreed for each, in the same order
 */
public record VehicleFaults(List<FaultCase> cases, List<FaultConditions> conditions) {}
