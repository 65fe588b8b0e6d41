package dev.stayfixed.obd;

import dev.stayfixed.obd.Scan.Line.Outcome;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/** Reads the lines of one paste in order, joins them to answers, and notes for each line what became of it. */
final class ScanReader {

    private final Explanations explanations;
    private final Requests requests = new Requests();
    private final FrameJoiner joiner = new FrameJoiner();
    private final OlderLines olderLines = new OlderLines();
    private final List<Message> messages = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();
    private final List<List<Integer>> unanswered = new ArrayList<>();
    private final WordReadings words = new WordReadings();
    private final Set<Answer.CodeList.Kind> doubtful = EnumSet.noneOf(Answer.CodeList.Kind.class);

    private ScanReader(List<String> texts) {
        this.explanations = new Explanations(texts);
    }

    static Scan read(String pasted) {
        List<String> texts = lines(pasted);
        ScanReader reader = new ScanReader(texts);
        for (int number = 1; number <= texts.size(); number++) {
            reader.readLine(number, texts.get(number - 1));
        }
        return reader.finish();
    }

    /** A carriage return, a line feed or both end a line; behind the last of them stands none where nothing stands. */
    private static List<String> lines(String pasted) {
        List<String> lines = new ArrayList<>();
        int from = 0;
        for (int at = 0; at < pasted.length(); at++) {
            char c = pasted.charAt(at);
            if (c == '\n' || c == '\r') {
                lines.add(pasted.substring(from, at));
                boolean both = c == '\r' && at + 1 < pasted.length() && pasted.charAt(at + 1) == '\n';
                at += both ? 1 : 0;
                from = at + 1;
            }
        }
        if (from < pasted.length()) {
            lines.add(pasted.substring(from));
        }
        return lines;
    }

    private void readLine(int number, String text) {
        if (number > Scan.MAX_LINES || text.length() > Scan.MAX_LINE_LENGTH) {
            refuse(number, tooMuch(number, text));
            doubtful.addAll(CodeListDoubt.ALL);
            return;
        }
        if (CodeListDoubt.namesAnotherUnit(text)) {
            words.addOtherUnit();
        }
        LineContent content;
        try {
            content = LineReader.read(text);
        } catch (ObdFormatException failure) {
            refuse(number, failure.reason());
            doubtful.addAll(CodeListDoubt.ofText(text));
            if (HexTokens.areIn(text, 0, text.length())) {
                doubtful.addAll(listsLastAskedFor(number, Set.of()));
            }
            words.addUnclear(text);
            return;
        }
        try {
            content.giveTo(this, number, text);
        } catch (ObdFormatException failure) {
            refuse(number, failure.reason());
            doubtful.addAll(CodeListDoubt.ALL);
        }
    }

    private static Reason tooMuch(int number, String text) {
        return number > Scan.MAX_LINES
                ? Reason.of(
                        LineNote.WITHOUT_PLACE,
                        Reason.of(ObdFound.LINE_NUMBER, Part.count(number)),
                        Reason.of(ObdExpected.AT_MOST_LINES, Part.count(Scan.MAX_LINES)))
                : Reason.of(
                        LineNote.WITHOUT_PLACE,
                        Reason.of(ObdFound.LONG_LINE, Part.count(text.length())),
                        Reason.of(ObdExpected.NO_MORE_THAN, Part.count(Scan.MAX_LINE_LENGTH)));
    }

    FrameJoiner joiner() {
        return joiner;
    }

    WordReadings words() {
        return words;
    }

    void ignore(int line, Reason explanation) {
        note(line, Outcome.IGNORED, () -> explanation);
    }

    /** It casts doubt only on the list whose request shows: without it, it may have been one that this car never had. */
    void takeSilence(int line, Reason explanation) {
        ignore(line, explanation);
        requests.last(line).ifPresent(unanswered::add);
        doubtful.addAll(listsLastAskedFor(line, Set.of()));
    }

    /** A request that is refused as unknown was answered as little as one that nobody answered. */
    private void takeRefusal(int line, Answer answer) {
        if (answer instanceof Answer.Refused refused && CodePresence.NO_SUCH_LIST.contains(refused.reason())) {
            requests.last(line)
                    .filter(request -> request.get(0) == refused.service())
                    .ifPresent(unanswered::add);
        }
    }

    void takeLoss(int line, Reason explanation) {
        ignore(line, explanation);
        doubtful.addAll(listsLastAskedFor(line, CodeListDoubt.ALL));
    }

    void takeDamage(int line, LineContent.Damaged damaged) {
        refuse(line, damaged.explanation());
        Set<Answer.CodeList.Kind> named = CodeListDoubt.ofText(damaged.text());
        doubtful.addAll(named);
        doubtful.addAll(listsLastAskedFor(line, named.isEmpty() ? CodeListDoubt.ALL : Set.of()));
    }

    private Set<Answer.CodeList.Kind> listsLastAskedFor(int line, Set<Answer.CodeList.Kind> unasked) {
        return requests.lastService(line).map(CodeListDoubt::ofRequest).orElse(unasked);
    }

    void takeRequest(int line, List<Integer> bytes) {
        note(
                line,
                Outcome.IGNORED,
                () -> Reason.of(LineNote.REQUEST, Part.verbatim(HexTokens.shorten(Bytes.hex(bytes)))));
        requests.add(line, bytes);
        joiner.endOfAnswers();
    }

    void takeFrame(int line, String text, LineContent.Frame frame) {
        int control = frame.bytes().get(0);
        if (control == 0 || control >> 4 == 3) {
            ignore(line, Reason.of(control == 0 ? LineNote.EMPTY_FRAME : LineNote.FLOW_CONTROL));
        } else if (isIdentifierRequest(frame)) {
            takeRequest(line, frame.bytes());
        } else {
            joiner.add(line, text, frame);
        }
    }

    /** "22 F4 0D" asks for identifiers unless an answer waits for its continuation 2. */
    private boolean isIdentifierRequest(LineContent.Frame frame) {
        return frame.unit().isEmpty()
                && frame.bytes().get(0) == 0x22
                && frame.bytes().size() % 2 == 1
                && !joiner.awaits(2);
    }

    void takeWhole(int line, LineContent.Whole answer) {
        if (OlderLines.isOne(answer)) {
            olderLines.add(line, answer);
        } else {
            messages.add(new Message(
                    answer.unit(),
                    answer.bytes(),
                    answer.layout(),
                    answer.lengthKnown(),
                    Optional.empty(),
                    List.of(line)));
        }
    }

    private Scan finish() {
        messages.addAll(joiner.finish());
        messages.addAll(olderLines.finish());
        messages.forEach(this::decode);
        joiner.unusedLengthLines()
                .forEach(line -> refuse(
                        line, Reason.of(LineNote.WITHOUT_PLACE, ObdFound.ANSWER_LENGTH, ObdExpected.LINES_BELOW)));
        for (WordReadings.Said said : words.weighed()) {
            note(said.reading().line(), Outcome.UNDERSTOOD, said::explanation);
            if (said.saysSomething()) {
                readings.add(said.reading());
            }
        }
        readings.addAll(
                words.reports().stream().filter(this::isNotReportedInBytes).toList());
        readings.sort(Comparator.comparingInt(Reading::line));
        return new Scan(explanations, readings, doubtful, unanswered);
    }

    /** What control units report themselves goes before what somebody read off a screen. */
    private boolean isNotReportedInBytes(Reading words) {
        boolean thisCycle = ((Answer.ReadinessReport) words.answer()).thisCycle();
        return readings.stream()
                .noneMatch(reading ->
                        reading.answer() instanceof Answer.ReadinessReport report && report.thisCycle() == thisCycle);
    }

    private void decode(Message message) {
        Decoded decoded;
        try {
            decoded = MessageReader.read(message, requests);
        } catch (ObdFormatException failure) {
            String answer = HexTokens.shorten(Bytes.hex(message.bytes()));
            message.lines()
                    .forEach(line -> refuse(
                            line, Reason.of(LineNote.FAILED_IN_ANSWER, Part.verbatim(answer), failure.reason())));
            doubtful.addAll(CodeListDoubt.ofAnswer(message.service()));
            return;
        }
        decoded.answers().forEach(answer -> takeRefusal(message.firstLine(), answer));
        Reading.Extent extent = decoded.whole() ? Reading.Extent.WHOLE : Reading.Extent.CUT_SHORT;
        boolean counted = message.layout() == Message.Layout.CAN
                && message.lengthKnown()
                && !message.unit().isEmpty();
        decoded.answers()
                .forEach(answer -> readings.add(new Reading(
                        message.firstLine(),
                        new Scan.Heard(message.unit(), answer),
                        extent,
                        decoded.possible(),
                        counted)));
        Outcome outcome = decoded.answers().isEmpty() ? Outcome.IGNORED : Outcome.UNDERSTOOD;
        for (int line : message.lines()) {
            boolean first = line == message.firstLine();
            note(
                    line,
                    first ? outcome : Outcome.PART_OF_MESSAGE,
                    first
                            ? decoded.explanation()
                            : () -> Reason.of(LineNote.PART_OF_ANSWER, Part.count(message.firstLine())));
        }
    }

    private void refuse(int line, Reason explanation) {
        note(line, Outcome.NOT_UNDERSTOOD, () -> explanation);
    }

    private void note(int line, Outcome outcome, Supplier<Reason> explanation) {
        explanations.note(line, outcome, explanation);
    }
}
