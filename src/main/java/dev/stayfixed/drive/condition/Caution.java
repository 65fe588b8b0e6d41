package dev.stayfixed.drive.condition;

import dev.stayfixed.reason.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** The customary cautions for a drive, after published service texts; local rules and service information come first. */
public enum Caution implements Kind {
    TRAFFIC,
    DRIVER_ONLY_DRIVES,
    PLUG_WITH_IGNITION_OFF,
    MIL_FLASHING,
    STOP_AT_ONCE,
    HYBRID,
    SERVICE_INFORMATION_FIRST,
    IDLING,
    COASTING;

    private static final List<Caution> ALWAYS = List.of(
            TRAFFIC,
            DRIVER_ONLY_DRIVES,
            PLUG_WITH_IGNITION_OFF,
            MIL_FLASHING,
            STOP_AT_ONCE,
            HYBRID,
            SERVICE_INFORMATION_FIRST);

    static List<Caution> of(List<DriveStep> steps) {
        Set<Phase> phases = steps.stream().map(DriveStep::phase).collect(Collectors.toSet());
        List<Caution> cautions = new ArrayList<>(ALWAYS);
        if (phases.contains(Phase.IDLE) || phases.contains(Phase.WARM_IDLE) || phases.contains(Phase.WARM_UP)) {
            cautions.add(IDLING);
        }
        if (phases.contains(Phase.COAST)) {
            cautions.add(COASTING);
        }
        return List.copyOf(cautions);
    }
}
