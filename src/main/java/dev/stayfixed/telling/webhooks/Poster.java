package dev.stayfixed.telling.webhooks;

import dev.stayfixed.telling.delivery.Channel.Answer;
import jakarta.annotation.PreDestroy;
import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.net.ConnectException;
import java.net.InetAddress;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.SSLException;
import org.apache.hc.client5.http.DnsResolver;
import org.apache.hc.client5.http.classic.methods.HttpPost;
import org.apache.hc.client5.http.config.ConnectionConfig;
import org.apache.hc.client5.http.config.RequestConfig;
import org.apache.hc.client5.http.impl.classic.CloseableHttpClient;
import org.apache.hc.client5.http.impl.classic.HttpClients;
import org.apache.hc.client5.http.impl.io.PoolingHttpClientConnectionManagerBuilder;
import org.apache.hc.client5.http.protocol.HttpClientContext;
import org.apache.hc.core5.http.ClassicHttpResponse;
import org.apache.hc.core5.http.EndpointDetails;
import org.apache.hc.core5.http.Header;
import org.apache.hc.core5.http.HttpEntity;
import org.apache.hc.core5.http.NoHttpResponseException;
import org.apache.hc.core5.http.io.entity.StringEntity;
import org.apache.hc.core5.util.TimeValue;
import org.apache.hc.core5.util.Timeout;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/** Posts once, trusting nothing that comes back: no redirect, no cookie, no decompression, little of the body, and never for long. */
@Component
class Poster {

    private static final Logger LOG = LoggerFactory.getLogger(Poster.class);

    /** Of an answer's body, in bytes. */
    static final int KEPT = 1000;

    /** A connection that nothing was sent over for so long is closed. */
    private static final TimeValue IDLE = TimeValue.ofSeconds(5);

    /** From then on an idle connection is looked at before it is used. */
    private static final TimeValue UNSURE = TimeValue.ofMilliseconds(500);

    /** No connection lives longer, so that a receiver's new address is seen. */
    private static final TimeValue OLD = TimeValue.ofMinutes(1);

    private final CloseableHttpClient http;
    private final int patienceMillis;
    private final ScheduledExecutorService watch = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "webhook-watch");
        thread.setDaemon(true);
        return thread;
    });

    Poster(Targets targets, WebhookSettings settings) {
        this.patienceMillis = settings.patienceMs();
        Timeout patience = Timeout.ofMilliseconds(patienceMillis);
        this.http = HttpClients.custom()
                .setConnectionManager(PoolingHttpClientConnectionManagerBuilder.create()
                        .setDnsResolver(new Checked(targets))
                        .setDefaultConnectionConfig(ConnectionConfig.custom()
                                .setConnectTimeout(patience)
                                .setSocketTimeout(patience)
                                .setValidateAfterInactivity(UNSURE)
                                .setTimeToLive(OLD)
                                .build())
                        .setMaxConnTotal(100)
                        .setMaxConnPerRoute(4)
                        .build())
                .setDefaultRequestConfig(RequestConfig.custom()
                        .setConnectionRequestTimeout(patience)
                        .setResponseTimeout(patience)
                        .build())
                .setKeepAliveStrategy((response, context) -> IDLE)
                .evictExpiredConnections()
                .evictIdleConnections(IDLE)
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
            return send(post);
        } finally {
            end.cancel(false);
        }
    }

    /**
     * A receiver may close a connection that was kept, just when it is used again; then the next one is tried, in the end a new one.
     * Should the receiver have read the message nevertheless, it knows the second by its id.
     */
    private Result send(HttpPost post) {
        while (true) {
            HttpClientContext context = HttpClientContext.create();
            try {
                return answered(post, http.executeOpen(null, post, context));
            } catch (IOException | RuntimeException e) {
                boolean late = post.isAborted() || e instanceof InterruptedIOException;
                if (late || !wasKept(context)) {
                    LOG.debug("a webhook was not answered", e);
                    return new Unanswered(late ? "not within " + patienceMillis + " ms" : words(e));
                }
            }
        }
    }

    /** Without what the client says of its inside, and of the addresses that a name leads to. */
    static String words(Exception e) {
        if (e instanceof UnknownHostException unknown) {
            return String.valueOf(unknown.getMessage());
        }
        if (e instanceof ConnectException) {
            return "nothing takes connections there";
        }
        if (e instanceof SSLException) {
            return "no secure connection could be made; its certificate may not be valid for this name";
        }
        return e instanceof NoHttpResponseException || e instanceof SocketException
                ? "the connection was closed"
                : "what came was not HTTP";
    }

    private static boolean wasKept(HttpClientContext context) {
        EndpointDetails connection = context.getEndpointDetails();
        return connection != null && connection.getResponseCount() > 0;
    }

    /** Once there is a status, there is an answer, whatever becomes of the connection. */
    private static Answered answered(HttpPost post, ClassicHttpResponse response) {
        Beginning body = Beginning.of(response);
        Answered answered = new Answered(response.getCode(), body.text(), retryAfter(response));
        if (!body.isAll()) {
            post.abort();
        }
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

    /**
     * Of a body. The status counts; a body that breaks off, or never ends, changes nothing about it.
     *
     * @param isAll read to its end, so that the connection can be used again
     */
    private record Beginning(String text, boolean isAll) {

        static Beginning of(ClassicHttpResponse response) {
            HttpEntity entity = response.getEntity();
            if (entity == null) {
                return new Beginning("", true);
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
                return new Beginning(printable(kept, length), read < 0);
            } catch (IOException e) {
                return new Beginning(printable(kept, length) + " (it broke off here)", false);
            }
        }

        private static String printable(byte[] bytes, int length) {
            String text = new String(bytes, 0, length, StandardCharsets.UTF_8);
            return text.codePoints()
                    .map(c -> Character.isISOControl(c) || !Character.isValidCodePoint(c) ? ' ' : c)
                    .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                    .toString();
        }
    }

    @PreDestroy
    void close() throws IOException {
        watch.shutdownNow();
        http.close();
    }
}
