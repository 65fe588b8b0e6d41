package planted.obd;

import org.springframework.util.StringUtils;
import planted.drive.Upstairs;

/** A pure package that knows a framework and a package above it. */
class DependsOnSpring {

    private final Upstairs upstairs = new Upstairs();

    boolean isBlank(String text) {
        return !StringUtils.hasText(text + upstairs);
    }
}
