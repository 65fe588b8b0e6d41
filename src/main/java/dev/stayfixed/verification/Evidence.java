package dev.stayfixed.verification;

/**
 * One thing the record says.
 *
 * @param source where it was read: a grade of monitor evidence, or a code list
 * @param says what it says, in a sentence
 */
public record Evidence(Source source, String says) {

    /** A grade of monitor evidence, or the code's own appearance in a list. */
    public sealed interface Source {
        String words();
    }

    /** The monitor itself was heard. */
    public record Monitor(EvidenceGrade grade) implements Source {
        @Override
        public String words() {
            return grade.words();
        }
    }

    /** The code itself stands, or stands no longer, in a list of services $03, $07 or $0A. */
    public record CodeStored() implements Source {
        @Override
        public String words() {
            return "code list of services $03 and $07";
        }
    }

    /** A counter, a lamp or a statement that concerns the whole record. */
    public record WholeRecord() implements Source {
        @Override
        public String words() {
            return "the record as a whole";
        }
    }

    static Evidence monitor(EvidenceGrade grade, String says) {
        return new Evidence(new Monitor(grade), says);
    }

    static Evidence code(String says) {
        return new Evidence(new CodeStored(), says);
    }

    static Evidence record(String says) {
        return new Evidence(new WholeRecord(), says);
    }
}
