package dev.stayfixed.simulator;

import java.util.Optional;

/** Service $02 frame 0: the conditions stored with a code. */
record FreezeFrame(String code, boolean keepsOthersOut, Sample at) {

    /** The first ordinary frame is kept; a misfire or fuel-system code overwrites an ordinary one, once (makers' service texts). */
    static Optional<FreezeFrame> store(Optional<FreezeFrame> present, CodeState failed, Sample now) {
        boolean priority = failed.spec.similar();
        boolean free = present.isEmpty() || (priority && !present.get().keepsOthersOut());
        return free ? Optional.of(new FreezeFrame(failed.spec.code(), priority, now)) : present;
    }
}
