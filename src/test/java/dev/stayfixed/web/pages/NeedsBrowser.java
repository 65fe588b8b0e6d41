package dev.stayfixed.web.pages;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.nio.file.Files;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Needs an installed Chromium. Where there is none the tests are skipped and say so; where CI=true they fail instead. */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(NeedsBrowser.Installed.class)
public @interface NeedsBrowser {

    /** Looks for the browser. */
    final class Installed implements ExecutionCondition {

        @Override
        public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
            if (Files.isExecutable(Browsers.executable())) {
                return ConditionEvaluationResult.enabled("found " + Browsers.executable());
            }
            String reason = "no browser at " + Browsers.executable()
                    + ": install chromium, or name it in STAYFIXED_BROWSER, to test the pages";
            if ("true".equals(System.getenv("CI"))) {
                throw new IllegalStateException(reason);
            }
            return ConditionEvaluationResult.disabled(reason);
        }
    }
}
