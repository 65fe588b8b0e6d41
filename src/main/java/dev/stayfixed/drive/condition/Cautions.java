package dev.stayfixed.drive.condition;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** The customary cautions for a drive, after published service texts; local rules and service information come first. */
final class Cautions {

    private static final List<String> ALWAYS = List.of(
            "Traffic law, speed limits and the conditions of the road come first: no plan is worth an unsafe drive.",
            "The driver only drives. Somebody else reads or handles the equipment, from a rear seat, with everything strapped"
                    + " down and nothing in front of an airbag.",
            "Plug test equipment in and out with the ignition off.",
            "MIL flashing: ease off and end the drive; the catalyst is being damaged.",
            "Stop at once on overheating, smoke, a smell of fuel, a red warning lamp, or trouble with brakes or steering.",
            "Hybrid and electric vehicles: the engine may start by itself while the vehicle is ready; high voltage is for"
                    + " trained staff only.",
            "Service information and local rules override this plan.");
    private static final String IDLING =
            "Engine running at a standstill: never in a closed room without exhaust extraction (carbon monoxide); P or neutral,"
                    + " parking brake set, wheels chocked in the shop; hands, hair and clothes away from fans, which may start by"
                    + " themselves; coolant and exhaust are hot.";
    private static final String COASTING =
            "Coasting down: look behind first, stay in gear, and brake whenever traffic asks for it.";

    private Cautions() {}

    static List<String> of(List<DriveStep> steps) {
        Set<Phase> phases = steps.stream().map(DriveStep::phase).collect(Collectors.toSet());
        List<String> cautions = new ArrayList<>(ALWAYS);
        if (phases.contains(Phase.IDLE) || phases.contains(Phase.WARM_IDLE) || phases.contains(Phase.WARM_UP)) {
            cautions.add(IDLING);
        }
        if (phases.contains(Phase.COAST)) {
            cautions.add(COASTING);
        }
        return List.copyOf(cautions);
    }
}
