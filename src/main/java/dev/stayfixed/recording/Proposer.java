package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Puts together, from headers and values, how a log would be read. */
final class Proposer {

    private Proposer() {}

    static Proposal propose(LogSample sample) {
        TimeProposer.Candidate time = TimeProposer.propose(sample);
        ColumnProposer proposer = new ColumnProposer(sample);
        List<ColumnProposal> proposals = new ArrayList<>();
        for (int i = 0; i < sample.columns().size(); i++) {
            if (time.date().orElse(-1) == i) {
                proposals.add(ColumnProposal.unused(
                        sample.columns().get(i).header().text(), Reason.of(ColumnReason.DATE_BESIDE_TIME)));
            } else if (i != time.column()) {
                proposals.add(proposer.propose(sample.columns().get(i)));
            }
        }
        List<ColumnProposal> each = onlyOnce(proposals);
        List<ColumnMapping> used =
                each.stream().flatMap(column -> column.mapping().stream()).toList();
        String timeHeader = sample.columns().get(time.column()).header().text();
        if (used.isEmpty()) {
            throw LogFormatException.atLine(
                    sample.layout().headerLine(),
                    Reason.of(
                            LogFound.NO_SIGNAL_COLUMN,
                            Shown.part(String.join(
                                    ", ",
                                    each.stream().map(ColumnProposal::header).toList()))),
                    LogExpected.SIGNAL_COLUMN);
        }
        return new Proposal(
                new LogMapping(
                        timeHeader,
                        time.date().stream()
                                .mapToObj(i -> sample.columns().get(i).header().text())
                                .findFirst(),
                        time.format(),
                        sample.mark(),
                        used),
                new ColumnProposal(timeHeader, Optional.empty(), time.confidence(), time.reason()),
                each);
    }

    /**
     * Of several columns that may carry one signal, the surest and then the first; but where there are several, somebody has to say
     * which of them it is.
     */
    private static List<ColumnProposal> onlyOnce(List<ColumnProposal> proposals) {
        Map<Signal, List<ColumnProposal>> rivals = new EnumMap<>(Signal.class);
        for (ColumnProposal proposal : proposals) {
            proposal.mapping()
                    .ifPresent(mapping -> rivals.computeIfAbsent(mapping.signal(), s -> new ArrayList<>())
                            .add(proposal));
        }
        Set<Signal> taken = EnumSet.noneOf(Signal.class);
        return proposals.stream()
                .map(proposal -> proposal.mapping()
                        .map(mapping -> rivals.getOrDefault(mapping.signal(), List.of(proposal)))
                        .map(each -> each.size() == 1 ? proposal : chosen(proposal, each, taken))
                        .orElse(proposal))
                .toList();
    }

    private static ColumnProposal chosen(ColumnProposal proposal, List<ColumnProposal> rivals, Set<Signal> taken) {
        ColumnProposal best = rivals.stream()
                .min(Comparator.comparing(ColumnProposal::confidence))
                .orElse(proposal);
        boolean first = proposal.equals(best)
                && proposal.mapping()
                        .filter(mapping -> taken.add(mapping.signal()))
                        .isPresent();
        if (!first) {
            return ColumnProposal.unused(
                    proposal.header(),
                    Reason.of(ColumnReason.GIVEN_ALREADY, Shown.part(best.header()), proposal.reason()));
        }
        List<ColumnProposal> rest = new ArrayList<>(rivals);
        rest.remove(proposal);
        String others = rest.stream().map(rival -> Shown.of(rival.header())).collect(Collectors.joining(", "));
        return new ColumnProposal(
                proposal.header(),
                proposal.mapping(),
                Confidence.GUESS,
                Reason.of(
                        Shape.EACH,
                        proposal.reason(),
                        Reason.of(ColumnReason.MAY_BE_IT_AS_WELL, Part.verbatim(others))));
    }
}
