package dev.stayfixed.verification.inspection;

import java.util.List;

/**
 * What is likely under one rule; never a promise.
 *
 * @param rule name and date of the rule
 * @param reasons each in a sentence, never empty
 */
public record InspectionOutlook(String rule, Likely likely, List<String> reasons) {

    /** "Not ready" means come back later; a fault that fails an inspection is another thing. */
    public enum Likely {
        READY("likely ready"),
        NOT_READY("likely not ready"),
        FAULT("likely to fail for a fault"),
        UNKNOWN("not to be told from these scans");

        private final String words;

        Likely(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public InspectionOutlook {
        reasons = List.copyOf(reasons);
        if (reasons.isEmpty()) {
            throw new IllegalArgumentException("an outlook names its reasons");
        }
    }

    /** "likely not ready under X, because …". */
    public String words() {
        return "%s under %s, because %s".formatted(likely.words(), rule, String.join("; ", reasons));
    }
}
