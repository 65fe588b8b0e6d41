package dev.stayfixed.telling;

import dev.stayfixed.platform.TellingOnH2;
import org.junit.jupiter.api.Nested;

@TellingOnH2
class TellingOnH2Test {

    @Nested
    class ByWebhook extends WebhookStories {}

    @Nested
    class AtRest extends SecretStories {}

    @Nested
    class Told extends TellingStories {}
}
