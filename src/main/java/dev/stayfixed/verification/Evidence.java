package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Reason;

/**
 * One thing the record says.
 *
 * @param source where it was read: a grade of monitor evidence, or a code list
 */
public record Evidence(Source source, Reason says) {

    /** A grade of monitor evidence, or the code's own appearance in a list. */
    public sealed interface Source {
        Kind kind();
    }

    /** The monitor itself was heard. */
    public record Monitor(EvidenceGrade grade) implements Source {
        @Override
        public Kind kind() {
            return grade;
        }
    }

    /** The code itself stands, or stands no longer, in a list of services $03, $07 or $0A. */
    public record CodeStored() implements Source {
        @Override
        public Kind kind() {
            return EvidenceSource.CODE_LIST;
        }
    }

    /** A counter, a lamp or a statement that concerns the whole record. */
    public record WholeRecord() implements Source {
        @Override
        public Kind kind() {
            return EvidenceSource.WHOLE_RECORD;
        }
    }

    static Evidence monitor(EvidenceGrade grade, Reason says) {
        return new Evidence(new Monitor(grade), says);
    }

    static Evidence code(Reason says) {
        return new Evidence(new CodeStored(), says);
    }

    static Evidence record(Reason says) {
        return new Evidence(new WholeRecord(), says);
    }
}
