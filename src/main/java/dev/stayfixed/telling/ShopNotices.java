package dev.stayfixed.telling;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What a shop wants to be told, and what its drivers are.
 *
 * @param version grows by one with every change
 * @param signature stands under every mail to a driver: who writes, and how to reach the shop
 * @param silentDays days without a drive after which an open job is reminded of; a job can say otherwise
 * @param comebackDays a repaired fault that is back within so many days is a comeback,
 * @param comebackDistance unless more than so many km are known to have been driven
 */
public record ShopNotices(
        int version,
        Optional<String> technicianEmail,
        Set<EventKind> technicianKinds,
        Set<EventKind> driverKinds,
        Optional<String> signature,
        int silentDays,
        int comebackDays,
        OptionalDouble comebackDistance) {

    /** Whether both call the same a comeback. */
    boolean sameComebacks(ShopNotices other) {
        return comebackDays == other.comebackDays && comebackDistance.equals(other.comebackDistance);
    }

    /** Before a shop said anything. The numbers are common practice, no source. */
    static ShopNotices untouched() {
        return new ShopNotices(
                1,
                Optional.empty(),
                EventKind.forTechnician(),
                EventKind.forDriver(),
                Optional.empty(),
                7,
                90,
                OptionalDouble.of(5000));
    }
}
