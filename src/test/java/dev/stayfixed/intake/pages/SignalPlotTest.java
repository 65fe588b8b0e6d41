package dev.stayfixed.intake.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Instant;
import java.util.List;
import java.util.regex.Pattern;
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

    /** 900 s to 960 s hold no reading: the line of each signal has exactly two parts. */
    @Test
    void breaksTheLineWhereNothingWasRead() {
        assertThat(Pattern.compile("data-values='[^']*' d='(M[^M']*M[^M']*)'")
                        .matcher(SignalPlot.svg(DRIVE))
                        .results())
                .hasSize(3);
    }

    @Test
    void isSmallHoweverManySamples() {
        assertThat(SignalPlot.svg(DRIVE)).hasSizeLessThan(80_000);
    }

    @Test
    void isWellFormedAndTellsItsContentInWords() throws Exception {
        String svg = SignalPlot.svg(DRIVE);
        var root = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new java.io.StringReader(svg)))
                .getDocumentElement();
        assertThat(root.getAttribute("role")).isEqualTo("img");
        assertThat(root.getAttribute("aria-label"))
                .contains("speed from", "to 187 km/h", "Speed 60 to 100 km/h for 60 s: held 2 times, missed 1 times");
        assertThat(svg).contains("missed at 7:10: 52 s of 60 s");
    }

    @Test
    void drawsThePartThatIsAskedFor() {
        String part = SignalPlot.svg(DRIVE, DRIVE.part(400, 460));
        assertThat(part).contains("data-from='400'", "data-to='460'", "missed at 7:10");
        assertThat(part.split("<title>held", -1))
                .as("only the coolant condition held in it")
                .hasSize(2);
    }

    @Test
    void bringsAnyPartIntoTheRecording() {
        assertThat(DRIVE.part(-5, 1e9)).isEqualTo(new Recording.Span(0, 1999.9));
        assertThat(DRIVE.part(500, 400)).isEqualTo(new Recording.Span(500, 501));
        assertThat(DRIVE.part(Double.NaN, Double.NaN)).isEqualTo(new Recording.Span(0, 1999.9));
        assertThat(SignalPlot.svg(new Recording(Instant.EPOCH, List.of(), List.of())))
                .startsWith("<svg");
    }

    @Test
    void escapesWhatIsWritten() {
        Recording recording = new Recording(
                Instant.EPOCH,
                List.of(new Recording.Signal("<b>'", "&", new double[] {0, 1}, new double[] {1, 2})),
                List.of());
        assertThat(SignalPlot.svg(recording)).contains("&lt;b&gt;&#39;").doesNotContain("<b>");
    }

    @Test
    void refusesTimesThatRunBackwards() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Recording.Signal("speed", "km/h", new double[] {2, 1}, new double[] {0, 0}))
                .withMessage("speed: found the time 1.0 after 2.0, expected ascending times");
    }
}
