package dev.stayfixed.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.MonitorState;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.obd.TroubleCode;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Ticks become lines that the scan reader understands, each as a reading of its own grade. */
class TickedScanTest {

    private static final TroubleCode P0420 = TroubleCode.parse("P0420");

    private static TickedScan ticks() {
        return new TickedScan("tick", List.of(new TickedScan.Row("P0420", MonitorGroup.CATALYST, "P0420")));
    }

    private static Scan scan(Form form) {
        return Scan.read(
                ticks().below(Optional.empty(), form, EnglishForms.READER).orElse(""));
    }

    @Test
    void whatIsNotTickedIsNotSaid() {
        Form form = Form.empty().put("tickStored", "").put("tickLamp", "").put("tickMonitorP0420", "");
        assertThat(ticks().below(Optional.empty(), form, EnglishForms.READER)).isEmpty();
        assertThat(ticks().below(Optional.of("47 00"), form, EnglishForms.READER))
                .contains("47 00");
        assertThat(ticks().isTouched(form)).isFalse();
    }

    @Test
    void everyTickIsAReading() {
        Form form = Form.empty()
                .put("tickStored", "none")
                .put("tickPending", "these")
                .put("tickPendingCodes", "p0420 P0171")
                .put("tickLamp", "off")
                .put("tickMonitorP0420", "complete")
                .put("tickTestP0420", "failed");
        assertThat(ticks().below(Optional.of("41 0C 00 00"), form, EnglishForms.READER))
                .contains("41 0C 00 00\nStored codes: none\nPending codes: P0420, P0171\nMIL: off\n"
                        + "catalyst: complete this drive cycle\nP0420: test failed in this drive");
        Scan scan = scan(form);
        assertThat(scan.lines()).allMatch(line -> line.outcome() == Scan.Line.Outcome.UNDERSTOOD);
        assertThat(scan.confirmed(P0420)).isEqualTo(Scan.Presence.ABSENT);
        assertThat(scan.pending(P0420)).isEqualTo(Scan.Presence.PRESENT);
        assertThat(scan.pending(TroubleCode.parse("P0300"))).isEqualTo(Scan.Presence.ABSENT);
        assertThat(scan.lamp()).contains(false);
        assertThat(scan.thisCycle(MonitorGroup.CATALYST)).contains(MonitorState.COMPLETE);
        assertThat(scan.status(P0420).flatMap(StatusByte::thisCycle)).contains(StatusByte.CycleResult.FAILED);
        assertThat(form.isWrong()).isFalse();
        assertThat(ticks().isTouched(form)).isTrue();
    }

    @Test
    void readySinceTheClearIsNotThisDrive() {
        Scan scan = scan(Form.empty().put("tickMonitorP0420", "not-ready"));
        assertThat(scan.thisCycle(MonitorGroup.CATALYST)).isEmpty();
        assertThat(scan.sinceClear(MonitorGroup.CATALYST)).contains(MonitorState.INCOMPLETE);
    }

    @ParameterizedTest
    @EnumSource(MonitorGroup.class)
    void everyMonitorIsUnderstoodByItsName(MonitorGroup group) {
        TickedScan ticks = new TickedScan("t", List.of(new TickedScan.Row("P0420", group, "P0420")));
        Scan scan = Scan.read(
                ticks.below(Optional.empty(), Form.empty().put("tMonitorP0420", "incomplete"), EnglishForms.READER)
                        .orElse(""));
        assertThat(scan.thisCycle(group)).contains(MonitorState.INCOMPLETE);
    }

    @Test
    void saysWhatIsWrongWithTheCodes() {
        Form missing = Form.empty().put("tickPending", "these");
        scan(missing);
        assertThat(missing.error("tickPendingCodes")).isEqualTo("Pending codes: give the codes that the tool shows");
        Form wrong = Form.empty().put("tickPending", "these").put("tickPendingCodes", "P042");
        scan(wrong);
        assertThat(wrong.error("tickPendingCodes"))
                .isEqualTo("Pending codes: found P042; wanted: a code such as P0420");
        Form both = Form.empty().put("tickStored", "none").put("tickStoredCodes", "P0420");
        scan(both);
        assertThat(both.error("tickStoredCodes")).contains("one of the two is wanted");
        Form unchosen = Form.empty().put("tickStoredCodes", "P0420");
        scan(unchosen);
        assertThat(unchosen.error("tickStoredCodes")).contains("choose “these”");
    }
}
