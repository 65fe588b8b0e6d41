package dev.stayfixed.jobs.pages;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The moments of a job on one axis of time, so that the lanes of all its faults can be held against each other. Time runs to the
 * right; moments that would lie on each other are moved apart, and a long pause is cut short. Drives in a row in which no fault's
 * monitor ran share one place.
 */
final class LaneAxis {

    private static final int LEAST_STEP = 112;
    private static final int LONGEST_STEP = 200;
    private static final int MARGIN = 62;
    private static final int EMPTY = 320;
    private static final double UNITS_PER_HOUR = 3;
    private static final int FOLDED_FROM = 3;

    private final List<Place> places;
    private final Map<Moment, Place> byMoment = new HashMap<>();

    private LaneAxis(List<Place> places) {
        this.places = places;
        places.forEach(place -> place.moments().forEach(moment -> byMoment.put(moment, place)));
    }

    /** Something on a lane. */
    record Event(LaneMark mark, Instant at) {}

    /** What happened at a time, one after the other: a drive can show that codes were cleared, and then be judged. */
    private record Moment(Instant at, int order) {}

    /**
     * A place on the axis.
     *
     * @param cut the pause before it is longer than it is drawn
     */
    record Place(int x, boolean cut, List<Moment> moments) {}

    /** What a lane has at one place: one event, or several that look the same. */
    record Stop(Place place, LaneMark mark, Instant first, Instant last, int count) {

        private Stop with(Instant at) {
            return new Stop(place, mark, first, at, count + 1);
        }
    }

    /** @param lanes the events of each fault, in the order of time */
    static LaneAxis of(List<List<Event>> lanes) {
        List<Place> places = new ArrayList<>();
        for (List<Moment> moments : folded(lanes)) {
            if (places.isEmpty()) {
                places.add(new Place(MARGIN, false, moments));
                continue;
            }
            Place before = places.get(places.size() - 1);
            double wanted = hours(before.moments(), moments) * UNITS_PER_HOUR;
            int step = (int) Math.round(Math.min(LONGEST_STEP, Math.max(LEAST_STEP, wanted)));
            places.add(new Place(before.x() + step, wanted > LONGEST_STEP, moments));
        }
        return new LaneAxis(places);
    }

    private static double hours(List<Moment> before, List<Moment> next) {
        return Duration.between(before.get(before.size() - 1).at(), next.get(0).at())
                        .toMinutes()
                / 60.0;
    }

    /** All moments in the order of time, those of one place together. */
    private static List<List<Moment>> folded(List<List<Event>> lanes) {
        SortedMap<Instant, Integer> most = new TreeMap<>();
        SortedMap<Instant, Boolean> plain = new TreeMap<>();
        for (List<Event> lane : lanes) {
            Map<Instant, Integer> here = new HashMap<>();
            for (Event event : lane) {
                int so = here.merge(event.at(), 1, Integer::sum);
                most.merge(event.at(), so, Math::max);
                plain.merge(event.at(), so == 1 && event.mark() == LaneMark.DID_NOT_RUN, Boolean::logicalAnd);
            }
        }
        List<List<Moment>> places = new ArrayList<>();
        List<Moment> run = new ArrayList<>();
        for (Map.Entry<Instant, Integer> at : most.entrySet()) {
            if (plain.getOrDefault(at.getKey(), false)) {
                run.add(new Moment(at.getKey(), 0));
                continue;
            }
            end(run, places);
            for (int order = 0; order < at.getValue(); order++) {
                places.add(List.of(new Moment(at.getKey(), order)));
            }
        }
        end(run, places);
        return places;
    }

    private static void end(List<Moment> run, List<List<Moment>> places) {
        if (run.size() >= FOLDED_FROM) {
            places.add(List.copyOf(run));
        } else {
            run.forEach(moment -> places.add(List.of(moment)));
        }
        run.clear();
    }

    /** What a lane has at its places, in the order of time. */
    List<Stop> stops(List<Event> lane) {
        List<Stop> stops = new ArrayList<>();
        Map<Instant, Integer> here = new HashMap<>();
        for (Event event : lane) {
            int order = here.merge(event.at(), 1, Integer::sum) - 1;
            Place place = byMoment.get(new Moment(event.at(), order));
            if (place == null) {
                throw new IllegalArgumentException(
                        "event of " + event.at() + ": found none on the axis, expected one of its lanes");
            }
            Stop last = stops.isEmpty() ? null : stops.get(stops.size() - 1);
            if (last != null && last.place().equals(place)) {
                stops.set(stops.size() - 1, last.with(event.at()));
            } else {
                stops.add(new Stop(place, event.mark(), event.at(), event.at(), 1));
            }
        }
        return stops;
    }

    int width() {
        return places.isEmpty() ? EMPTY : places.get(places.size() - 1).x() + MARGIN;
    }
}
