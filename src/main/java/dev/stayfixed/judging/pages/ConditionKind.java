package dev.stayfixed.judging.pages;

import dev.stayfixed.drive.condition.AtStart;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.Hold;
import dev.stayfixed.drive.condition.Reach;
import dev.stayfixed.drive.condition.Soak;
import dev.stayfixed.drive.condition.StartDifference;
import dev.stayfixed.reason.Kind;

/** What a row of the form of conditions may say. Public for the templates. */
public enum ConditionKind implements Kind {
    SOAK,
    AT_START,
    DIFFERENCE,
    REACH,
    RISE,
    HOLD,
    TOTAL,
    MEANWHILE;

    /** Whether a row of this kind can have others that say what has to hold meanwhile. */
    boolean takesMeanwhile() {
        return this == REACH || this == RISE || this == HOLD || this == TOTAL;
    }

    /** Whether its value is a step between two values, which has no zero point of its own. */
    boolean isDifference() {
        return this == DIFFERENCE || this == RISE;
    }

    static ConditionKind of(Condition condition) {
        return condition.match(new Condition.Cases<>() {
            @Override
            public ConditionKind soak(Soak soak) {
                return SOAK;
            }

            @Override
            public ConditionKind atStart(AtStart start) {
                return AT_START;
            }

            @Override
            public ConditionKind startDifference(StartDifference difference) {
                return DIFFERENCE;
            }

            @Override
            public ConditionKind reach(Reach reach) {
                return reach.isRise() ? RISE : REACH;
            }

            @Override
            public ConditionKind hold(Hold hold) {
                return hold.unbroken() ? HOLD : TOTAL;
            }
        });
    }
}
