package dev.stayfixed.histories;

import dev.stayfixed.histories.Answer.Bit;
import dev.stayfixed.histories.Answer.Codes;
import dev.stayfixed.histories.Answer.Extent;
import dev.stayfixed.histories.Answer.Listing;
import dev.stayfixed.histories.Answer.SinceClear;
import dev.stayfixed.histories.Answer.Statuses;
import dev.stayfixed.histories.Answer.ThisCycle;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Which control unit owns the fault, as far as the readings so far have told, and what its answers therefore say (assumption 1). A
 * listing counts whoever gives it; only the owner's whole answer denies.
 */
final class Owner {

    private final Watched fault;
    private Optional<String> seen = Optional.empty();
    private boolean isEverListed;
    private final int namelessUnits;
    private boolean listsUntested;

    /** Who owns the code, and in which lists it is named, is the same all the time: the whole record tells. */
    Owner(CarRecord record) {
        this.fault = record.fault();
        List<Reading> all =
                record.entries().stream().flatMap(e -> e.readings().stream()).toList();
        all.stream().flatMap(r -> r.all(Codes.class)).filter(this::lists).forEach(list -> {
            seen = Optional.of(list.unit());
            isEverListed = true;
        });
        all.stream()
                .flatMap(r -> r.all(Statuses.class))
                .filter(s -> isReadable(s.extent()) && s.bytes().containsKey(fault.code()))
                .forEach(s -> seen = Optional.of(s.unit()));
        namelessUnits = all.stream()
                .filter(r -> !r.headers())
                .mapToInt(r -> Math.max(
                        (int) statusLists(r).count(),
                        Stream.of(Listing.values())
                                .mapToInt(l -> answersTo(l, r).size())
                                .max()
                                .orElse(0)))
                .max()
                .orElse(0);
    }

    private static Stream<Statuses> statusLists(Reading reading) {
        return reading.all(Statuses.class).filter(s -> s.subfunction() == 0x02);
    }

    private static List<Codes> answersTo(Listing listing, Reading reading) {
        return reading.all(Codes.class).filter(c -> c.listing() == listing).toList();
    }

    /** What it shows of how its unit lists codes. */
    void meet(Reading reading) {
        listsUntested |= reading.all(Statuses.class)
                .filter(s -> s.subfunction() == 0x02 && isReadable(s.extent()) && isOwner(s, reading))
                .flatMap(s -> s.bytes().values().stream())
                .anyMatch(status -> (status & 0x50) != 0 && (status & ~0x50) == 0);
    }

    private boolean lists(Codes list) {
        return isReadable(list.extent()) && list.codes().contains(fault.code());
    }

    private static boolean isReadable(Extent extent) {
        return extent == Extent.WHOLE;
    }

    /** Whether the code stands in that list; empty where nobody who could say has said so. */
    Optional<Boolean> stands(Listing listing, Reading reading) {
        List<Codes> answers = answersTo(listing, reading);
        if (answers.stream().anyMatch(this::lists)) {
            return Optional.of(true);
        }
        boolean canDeny = fault.isPowertrain() || isEverListed;
        return canDeny && (reading.headers() ? answers.stream().anyMatch(this::denies) : allDeny(answers))
                ? Optional.of(false)
                : Optional.empty();
    }

    private boolean denies(Codes list) {
        return isWhole(list) && list.unit().equals(unit());
    }

    /** Without headers the owner is one of those that answer, if none of them stayed silent. */
    private boolean allDeny(List<Codes> answers) {
        return !answers.isEmpty()
                && answers.size() == namelessUnits
                && answers.stream().allMatch(this::isWhole);
    }

    /** Padding hides how many codes there are, not which bytes are there: a code that neither layout names is not in the list. */
    private boolean isWhole(Codes list) {
        return isReadable(list.extent())
                || (list.extent() == Extent.PADDED && !list.codes().contains(fault.code()));
    }

    /** The status byte of this very code. */
    Optional<Integer> status(Reading reading) {
        return reading.all(Statuses.class)
                .filter(s -> isReadable(s.extent()) && s.bytes().containsKey(fault.code()))
                .map(s -> s.bytes().get(fault.code()))
                .findFirst();
    }

    /** The owner's whole $19 02 FF list leaves the code out; without headers those of all that answer. */
    boolean leavesOut(Reading reading) {
        List<Statuses> lists =
                statusLists(reading).filter(s -> isReadable(s.extent())).toList();
        boolean said = reading.headers()
                ? lists.stream().anyMatch(s -> s.unit().equals(unit()))
                : lists.size() >= Math.max(1, namelessUnits) && (fault.isPowertrain() || seen.isPresent());
        return said && status(reading).isEmpty();
    }

    /** Assumption 11: only of such a unit a code that is left out has status 00. */
    boolean listsUntested() {
        return listsUntested;
    }

    /** Without headers all reports together: the lamp is off where none commands it, and the one that has the monitor speaks of it. */
    Optional<SinceClear> sinceClear(Reading reading) {
        if (reading.headers()) {
            return answer(SinceClear.class, reading);
        }
        return reading.all(SinceClear.class)
                .reduce((a, b) -> new SinceClear(
                        "",
                        a.lamp() || b.lamp(),
                        a.count() + b.count(),
                        together(a.bit(), b.bit()),
                        a.others() && b.others()))
                .filter(r -> fault.isPowertrain() || seen.isPresent());
    }

    Optional<ThisCycle> thisCycle(Reading reading) {
        if (reading.headers()) {
            return answer(ThisCycle.class, reading);
        }
        return reading.all(ThisCycle.class)
                .reduce((a, b) -> new ThisCycle("", together(a.bit(), b.bit())))
                .filter(r -> fault.isPowertrain() || seen.isPresent());
    }

    private static Bit together(Bit a, Bit b) {
        if (a == Bit.NOT_SUPPORTED || b == Bit.NOT_SUPPORTED) {
            return a == Bit.NOT_SUPPORTED ? b : a;
        }
        return a == Bit.COMPLETE && b == Bit.COMPLETE ? Bit.COMPLETE : Bit.INCOMPLETE;
    }

    /** The owner's answer of a kind that each unit gives once. */
    <A extends Answer> Optional<A> answer(Class<A> type, Reading reading) {
        return reading.all(type).filter(a -> isOwner(a, reading)).findFirst();
    }

    private boolean isOwner(Answer answer, Reading reading) {
        if (reading.headers()) {
            return answer.unit().equals(unit());
        }
        return reading.all(answer.getClass()).count() == 1 && (fault.isPowertrain() || seen.isPresent());
    }

    /** The unit seen to list the code; the engine's for a powertrain code that none was seen to list; else nobody. */
    private String unit() {
        return seen.orElse(fault.isPowertrain() ? Watched.ENGINE : "nobody");
    }
}
