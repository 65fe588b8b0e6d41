package dev.stayfixed.telling;

import dev.stayfixed.platform.TellingOnPostgres;
import org.junit.jupiter.api.Nested;

@TellingOnPostgres
class TellingOnPostgresTest {

    @Nested
    class ByWebhook extends WebhookStories {}

    @Nested
    class AtRest extends SecretStories {}

    @Nested
    class Told extends TellingStories {}
}
