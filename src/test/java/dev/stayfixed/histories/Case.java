package dev.stayfixed.histories;

import static dev.stayfixed.English.words;

import dev.stayfixed.histories.Oracle.Says;
import dev.stayfixed.histories.UntidyRecords.Made;
import dev.stayfixed.verification.Verdict;

/** One record, judged twice: by all its histories and by the rule on trial. */
record Case(Made made, Oracle.Answered oracle, Verdict verdict) {

    static Case of(Made made) {
        return new Case(made, Oracle.ask(made.record()), RuleOnTrial.verdict(made.record()));
    }

    /** The same car, read by a tool that has words only. */
    static Case inWords(Made made) {
        return new Case(made, Oracle.ask(made.record()), RuleOnTrial.verdict(made.record(), WordsText::of));
    }

    Says rule() {
        return RuleOnTrial.says(verdict.state());
    }

    /** A record that no history fits breaks an assumption: of it neither can be held to anything. */
    boolean agrees() {
        return rule() == oracle.says() || !oracle.fits();
    }

    /** It says less than all histories would allow. */
    boolean isCareful() {
        return !agrees() && rule() == Says.NEITHER;
    }

    /** The oracle itself: what truly happened is among the histories, and it says nothing that is not true. */
    boolean holdsTheTruth() {
        if (!Clauses.MAY_VANISH && made.vanished()) {
            return true;
        }
        boolean among = oracle.fits() && oracle.memories().stream().anyMatch(made::isTruth);
        boolean falselyFixed = oracle.says() == Says.CONFIRMED_FIXED && !made.proven();
        boolean falselyBack = oracle.says() == Says.RECURRED && !made.confirmedSinceRepair();
        return among && !falselyFixed && !falselyBack;
    }

    /** The rule calls it fixed, and in truth there never were enough passed trips in a row. */
    boolean isFalselyFixed() {
        return rule() == Says.CONFIRMED_FIXED && !made.proven() && (Clauses.MAY_VANISH || !made.vanished());
    }

    boolean isFalselyBack() {
        return rule() == Says.RECURRED && !made.confirmedSinceRepair();
    }

    String kind() {
        return "all histories: %s, rule: %s".formatted(oracle.says(), rule());
    }

    @Override
    public String toString() {
        return """

                ---- seed %d: %s
                %s
                truth: %s repair, %d passes in a row at the last reading, %s; untidy: %s
                oracle: %s
                  %s
                a bad history that fits:
                  %s
                rule: %s
                  %s
                """.formatted(
                        made.seed(),
                        kind(),
                        made.record(),
                        made.workmanship(),
                        made.passes(),
                        made.confirmedSinceRepair() ? "confirmed since the repair" : "not confirmed since",
                        made.untidy(),
                        oracle.says(),
                        String.join("\n  ", oracle.steps()),
                        oracle.bad().isEmpty() ? "none" : String.join("\n  ", oracle.bad()),
                        words(verdict.state().said()),
                        RuleOnTrial.steps(verdict));
    }
}
