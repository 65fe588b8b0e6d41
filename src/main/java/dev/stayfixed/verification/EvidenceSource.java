package dev.stayfixed.verification;

import dev.stayfixed.reason.Kind;

/** Where evidence was read that is none of a monitor. */
enum EvidenceSource implements Kind {
    CODE_LIST,
    WHOLE_RECORD
}
