package dev.stayfixed.intake.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.StringReader;
import java.time.Instant;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

class SignalPlotTest {

    private static final Recording DRIVE = GeneratedDrive.recording();

    @Test
    void keepsTheOnePeakAmongTwentyThousandSamples() {
        PixelColumns columns = PixelColumns.of(DRIVE.signals().get(0), 0, DRIVE.end(), SignalPlot.COLUMNS);
        assertThat(columns.highest()).isEqualTo(GeneratedDrive.SPIKE);
        int column = (int) (1234.5 / DRIVE.end() * SignalPlot.COLUMNS);
        assertThat(columns.high(column)).isEqualTo(GeneratedDrive.SPIKE);
        assertThat(columns.low(column)).isLessThan(111);
    }

    private static SignalPlot plot(Recording recording, double from, double to) {
        return new SignalPlot(recording, recording.part(from, to));
    }

    private static SignalPlot whole() {
        return plot(DRIVE, Double.NaN, Double.NaN);
    }

    /** 900 s to 960 s hold no reading: the line of each signal has exactly two parts, and the read-out says so there. */
    @Test
    void breaksTheLineWhereNothingWasRead() {
        assertThat(whole().panels())
                .hasSize(3)
                .allSatisfy(panel ->
                        assertThat(panel.curve()).containsPattern("data-values='[^']*,-,[^']*' d='M[^M']*M[^M']*'"));
    }

    @Test
    void isSmallHoweverManySamples() {
        assertThat(everything(whole())).hasSizeLessThan(60_000);
    }

    private static String everything(SignalPlot plot) {
        return Stream.of(
                        plot.panels().stream().map(panel -> panel.scale() + panel.curve()),
                        plot.strips().stream().map(SignalPlot.Strip::svg),
                        Stream.of(plot.axis()))
                .flatMap(svg -> svg)
                .collect(Collectors.joining());
    }

    @Test
    void isWellFormedAndTellsItsContentInWords() throws Exception {
        var root = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader("<all>" + everything(whole()) + "</all>")))
                .getDocumentElement();
        assertThat(root.getElementsByTagName("path").getLength()).isGreaterThan(3);
        assertThat(whole().described()).contains("From 0:00 to 33:20", "speed from", "to 187 km/h");
    }

    @Test
    void aConditionLiesBehindTheCurveOfItsOwnSignalBetweenItsLimits() {
        List<SignalPlot.Panel> panels = whole().panels();
        assertThat(bars(panels.get(0).curve())).containsExactly("open", "open", "open", "held");
        assertThat(bars(panels.get(1).curve())).containsExactly("open", "missed", "missed");
        assertThat(bars(panels.get(2).curve()))
                .as("that of no signal that is drawn")
                .containsExactly("open");
        assertThat(panels.get(0).curve()).as("the band before the line").containsPattern("plot-held.*plot-line");
        assertThat(panels.get(2).curve())
                .as("a limit that was never reached is in sight")
                .contains("plot-limit");
    }

    private static List<String> bars(String svg) {
        return Pattern.compile("<rect class='plot-(\\w+)[ ']")
                .matcher(svg)
                .results()
                .map(found -> found.group(1))
                .toList();
    }

    @Test
    void whatWasMissedIsMarkedWithItsAmount() {
        List<SignalPlot.Strip> strips = whole().strips();
        assertThat(strips)
                .extracting(SignalPlot.Strip::answer)
                .containsExactly("held", "missed", "missed", "held", "not known");
        assertThat(strips.get(1).svg()).contains("plot-missed", ">held 52 s of 60 s</text>");
        assertThat(strips).extracting(SignalPlot.Strip::marked).containsExactly(true, true, false, false, true);
    }

    @Test
    void drawsThePartThatIsAskedFor() {
        SignalPlot part = plot(DRIVE, 290, 400);
        assertThat(part.described()).contains("From 4:50 to 6:40");
        assertThat(bars(part.panels().get(0).curve())).containsExactly("open");
        assertThat(bars(part.strips().get(1).svg())).containsExactly("missed");
        assertThat(part.panels().get(0).scale())
                .as("numbers stay where they are")
                .isEqualTo(whole().panels().get(0).scale());
    }

    @Test
    void linksLeadToOtherStretches() {
        assertThat(PlotView.of(DRIVE, "/d", Double.NaN, Double.NaN).links())
                .filteredOn(PlotView.Link::leads)
                .extracting(PlotView.Link::name)
                .containsExactly("in");
        assertThat(PlotView.of(DRIVE, "/d", 0, 400).links())
                .filteredOn(PlotView.Link::leads)
                .extracting(PlotView.Link::href)
                .containsExactly(
                        "/d?from=100.0&to=300.0#plot",
                        "/d?from=0.0&to=600.0#plot",
                        "/d?from=200.0&to=600.0#plot",
                        "/d?from=0.0&to=1999.9#plot");
    }

    @Test
    void bringsAnyPartIntoTheRecording() {
        assertThat(DRIVE.part(-5, 1e9)).isEqualTo(new Recording.Span(0, 1999.9));
        assertThat(DRIVE.part(500, 400)).isEqualTo(new Recording.Span(500, 501));
        assertThat(DRIVE.part(Double.NaN, Double.NaN)).isEqualTo(new Recording.Span(0, 1999.9));
        Recording empty = new Recording(Instant.EPOCH, List.of(), List.of());
        assertThat(plot(empty, 0, 0).axis()).startsWith("<svg");
    }

    @Test
    void escapesWhatIsWritten() {
        Recording recording = new Recording(
                Instant.EPOCH,
                List.of(new Recording.Signal("<b>'", "&", new double[] {0, 1}, new double[] {1, 2})),
                List.of());
        assertThat(everything(plot(recording, 0, 1))).contains("&lt;b&gt;&#39;").doesNotContain("<b>");
    }

    @Test
    void refusesTimesThatRunBackwards() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Recording.Signal("speed", "km/h", new double[] {2, 1}, new double[] {0, 0}))
                .withMessage("speed: found the time 1.0 after 2.0, expected ascending times");
    }
}
