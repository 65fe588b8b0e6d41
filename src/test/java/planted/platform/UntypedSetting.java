package planted.platform;

import org.springframework.beans.factory.annotation.Value;

/** A setting that is known by its name only. */
class UntypedSetting {

    private final int most;

    UntypedSetting(@Value("${most}") int most) {
        this.most = most;
    }

    int most() {
        return most;
    }
}
