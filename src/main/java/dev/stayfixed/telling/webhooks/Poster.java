package dev.stayfixed.telling.webhooks;

import dev.stayfixed.telling.delivery.Channel.Answer;
import jakarta.annotation.PreDestroy;
import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import org.apache.hc.client5.http.DnsResolver;
import org.apache.hc.client5.http.classic.methods.HttpPost;
import org.apache.hc.client5.http.config.ConnectionConfig;
import org.apache.hc.client5.http.config.RequestConfig;
import org.apache.hc.client5.http.impl.classic.CloseableHttpClient;
import org.apache.hc.client5.http.impl.classic.HttpClients;
import org.apache.hc.client5.http.impl.io.PoolingHttpClientConnectionManagerBuilder;
import org.apache.hc.core5.http.ClassicHttpResponse;
import org.apache.hc.core5.http.Header;
import org.apache.hc.core5.http.HttpEntity;
import org.apache.hc.core5.http.io.entity.StringEntity;
import org.apache.hc.core5.util.Timeout;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Posts once, trusting nothing that comes back: no redirect, no cookie, no decompression, little of the body, and never for long. */
@Component
class Poster {

    private static final Logger LOG = LoggerFactory.getLogger(Poster.class);

    /** Of an answer's body, in bytes. */
    static final int KEPT = 1000;

    private final CloseableHttpClient http;
    private final int patienceMillis;
    private final ScheduledExecutorService watch = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "webhook-watch");
        thread.setDaemon(true);
        return thread;
    });

    /** @param patienceMillis from the beginning to the end of one post, whatever the receiver does */
    Poster(Targets targets, @Value("${stayfixed.webhooks.patience-ms:15000}") int patienceMillis) {
        this.patienceMillis = patienceMillis;
        Timeout patience = Timeout.ofMilliseconds(patienceMillis);
        this.http = HttpClients.custom()
                .setConnectionManager(PoolingHttpClientConnectionManagerBuilder.create()
                        .setDnsResolver(new Checked(targets))
                        .setDefaultConnectionConfig(ConnectionConfig.custom()
                                .setConnectTimeout(patience)
                                .setSocketTimeout(patience)
                                .build())
                        .setMaxConnTotal(20)
                        .setMaxConnPerRoute(4)
                        .build())
                .setDefaultRequestConfig(RequestConfig.custom()
                        .setConnectionRequestTimeout(patience)
                        .setResponseTimeout(patience)
                        .build())
                .setConnectionReuseStrategy((request, response, context) -> false)
                .setUserAgent("stayfixed")
                .disableRedirectHandling()
                .disableAutomaticRetries()
                .disableCookieManagement()
                .disableAuthCaching()
                .disableContentCompression()
                .build();
    }

    /** The client connects to what this returns, and to nothing else. */
    private record Checked(Targets targets) implements DnsResolver {
        @Override
        public InetAddress[] resolve(String host) throws UnknownHostException {
            return targets.resolve(host);
        }

        @Override
        public String resolveCanonicalHostname(String host) {
            return host;
        }
    }

    /** What came of it. */
    sealed interface Result {
        Answer failure(Optional<Instant> askedFor);
    }

    /**
     * It answered.
     *
     * @param body the beginning of it, as far as it came
     */
    record Answered(int status, String body, @Nullable String retryAfter) implements Result {
        @Override
        public Answer failure(Optional<Instant> askedFor) {
            String redirect = status / 100 == 3 ? "; redirects are not followed, change the address instead" : "";
            return new Answer.TryLater("answered " + status + redirect, Optional.of(body), askedFor);
        }
    }

    /** There was no answer that HTTP knows. */
    record Unanswered(String why) implements Result {
        @Override
        public Answer failure(Optional<Instant> askedFor) {
            return new Answer.TryLater("no answer: " + why, Optional.empty(), askedFor);
        }
    }

    Result post(String url, Map<String, String> headers, String payload) {
        HttpPost post = new HttpPost(url);
        headers.forEach(post::setHeader);
        post.setHeader("Content-Type", CloudEvent.MEDIA_TYPE);
        post.setEntity(new StringEntity(payload, org.apache.hc.core5.http.ContentType.parse(CloudEvent.MEDIA_TYPE)));
        // The limits of the client run beside this one; whichever ends first, it was patience that ended.
        ScheduledFuture<?> end = watch.schedule(post::abort, patienceMillis, TimeUnit.MILLISECONDS);
        try {
            return answered(post, http.executeOpen(null, post, null));
        } catch (IOException | RuntimeException e) {
            return new Unanswered(
                    post.isAborted() || e instanceof InterruptedIOException
                            ? "not within " + patienceMillis + " ms"
                            : e.getClass().getSimpleName() + ": " + e.getMessage());
        } finally {
            end.cancel(false);
        }
    }

    /** Once there is a status, there is an answer, whatever becomes of the connection. */
    private static Answered answered(HttpPost post, ClassicHttpResponse response) {
        Answered answered = new Answered(response.getCode(), beginning(response), retryAfter(response));
        post.abort();
        try {
            response.close();
        } catch (IOException e) {
            LOG.debug("the connection broke off after the answer", e);
        }
        return answered;
    }

    private static @Nullable String retryAfter(ClassicHttpResponse response) {
        Header header = response.getFirstHeader("Retry-After");
        return header == null ? null : header.getValue();
    }

    /** The status counts; a body that breaks off, or never ends, changes nothing about it. */
    private static String beginning(ClassicHttpResponse response) {
        HttpEntity entity = response.getEntity();
        if (entity == null) {
            return "";
        }
        byte[] kept = new byte[KEPT];
        int length = 0;
        try {
            InputStream body = entity.getContent();
            int read = 0;
            while (read >= 0 && length < KEPT) {
                length += read;
                read = body.read(kept, length, KEPT - length);
            }
        } catch (IOException e) {
            return printable(kept, length) + " (it broke off here)";
        }
        return printable(kept, length);
    }

    private static String printable(byte[] bytes, int length) {
        String text = new String(bytes, 0, length, StandardCharsets.UTF_8);
        return text.codePoints()
                .map(c -> Character.isISOControl(c) || !Character.isValidCodePoint(c) ? ' ' : c)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    @PreDestroy
    void close() throws IOException {
        watch.shutdownNow();
        http.close();
    }
}
