package dev.stayfixed.telling.webhooks;

import com.standardwebhooks.Webhook;
import com.standardwebhooks.exceptions.EmptyWebhookSecretException;
import com.standardwebhooks.exceptions.WebhookSigningException;
import java.time.Instant;

/** The webhook-signature header of the Standard Webhooks specification. */
final class Signature {

    private Signature() {}

    /** One signature for each secret that is valid now, with spaces between them. */
    static String of(Secrets secrets, String id, Instant now, String payload) {
        String signature = sign(secrets.present(), id, now, payload);
        return secrets.previousAt(now)
                .map(previous -> signature + " " + sign(previous, id, now, payload))
                .orElse(signature);
    }

    private static String sign(String secret, String id, Instant now, String payload) {
        try {
            return new Webhook(secret).sign(id, now.getEpochSecond(), payload);
        } catch (EmptyWebhookSecretException | WebhookSigningException e) {
            throw new IllegalStateException("a secret that this service made does not sign", e);
        }
    }
}
