package dev.stayfixed.web.api;

import dev.stayfixed.obd.CodeNature;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.ObdFormatException;
import dev.stayfixed.obd.TestResult;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Codes", description = "What the standards say of a trouble code")
@RestController
@RequestMapping(Link.BASE + "/codes")
class CodeController {

    /**
     * A trouble code.
     *
     * @param nature what kind of test its own description speaks of
     * @param readinessCovers whether the readiness bits of its group speak of this very code
     * @param monitorIds on-board monitor ids of service $06 that decide this very code, in hex
     * @param usualNote how its repair is usually proven
     */
    record CodeAnswer(
            String code,
            MonitorGroup group,
            String groupWords,
            boolean manufacturerSpecific,
            CodeNature nature,
            boolean readinessCovers,
            List<String> monitorIds,
            String usualNote) {}

    @Operation(summary = "The monitor that covers a code, and how its repair is usually proven")
    @GetMapping("/{code}")
    CodeAnswer code(@PathVariable String code, @RequestParam(defaultValue = "SPARK") Ignition ignition) {
        TroubleCode parsed = parse(code);
        MonitorGroup group = MonitorGroup.of(parsed, ignition);
        List<String> ids = TestResult.monitorIdsOf(parsed, ignition).stream()
                .sorted()
                .map(id -> "%02X".formatted(id))
                .toList();
        return new CodeAnswer(
                parsed.text(),
                group,
                group.label(),
                isManufacturerSpecific(parsed),
                CodeNature.of(parsed),
                MonitorGroup.readinessCovers(parsed, ignition),
                ids,
                note(parsed, group, ignition));
    }

    private static TroubleCode parse(String code) {
        try {
            return TroubleCode.parse(code);
        } catch (ObdFormatException e) {
            throw new Refused(
                    ProblemType.NOT_FOUND,
                    "no trouble code has this form: " + ReasonAnswer.text(e.reason()) + ", such as P0420");
        }
    }

    /** SAE J2012: P1, C1, C2, B1, B2, U1, U2, and P30 to P33 are left to the makers. */
    private static boolean isManufacturerSpecific(TroubleCode code) {
        int letter = code.number() >> 14;
        int second = code.number() >> 12 & 3;
        int third = code.number() >> 8 & 15;
        boolean powertrain = letter == 0;
        return second == 1 || (second == 2 && !powertrain) || (second == 3 && powertrain && third <= 3);
    }

    private static String note(TroubleCode code, MonitorGroup group, Ignition ignition) {
        if (group.needsSimilarConditions(code)) {
            return "Watched all the time; a pass counts only under conditions similar to the freeze frame.";
        }
        if (CodeNature.of(code) == CodeNature.CIRCUIT && !MonitorGroup.readinessCovers(code, ignition)) {
            return "A circuit, watched all the time: no readiness bit speaks of it; the status byte of the code, or its own"
                    + " conditions met with service $07 empty, shows that it passed.";
        }
        return !MonitorGroup.readinessCovers(code, ignition)
                ? "Readiness proves nothing about it; look for the status byte of the code or a service $06 result."
                : "Runs once a drive when its enabling conditions are met; PID $41, a service $06 result or the status byte of"
                        + " the code shows that it ran.";
    }
}
