package dev.stayfixed.platform.http;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.problem.ProblemAnswer;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.StoredAnswers;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.dao.DataAccessException;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.DispatcherServlet;
import org.springframework.web.util.ContentCachingResponseWrapper;

/**
 * Idempotency-Key on every POST: the key, the effect and the answer are one transaction. The answer leaves when that transaction is
 * durable; a request that was refused leaves no trace, so its key can be used again. It is the last of the filters, because a write may
 * run more than once.
 */
final class RepeatedRequests extends OncePerRequestFilter {

    private final Durably durably;
    private final StoredAnswers answers;
    private final CurrentShop shop;
    private final Set<String> running = ConcurrentHashMap.newKeySet();

    RepeatedRequests(Durably durably, StoredAnswers answers, CurrentShop shop) {
        this.durably = durably;
        this.answers = answers;
        this.shop = shop;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !"POST".equals(request.getMethod())
                || request.getHeader(IdempotencyKey.HEADER) == null
                || !shop.isSomewhere()
                || !(request instanceof ReadRequest);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        try {
            IdempotencyKey key = IdempotencyKey.of((ReadRequest) request);
            String here = shop.id() + " " + key.name();
            if (!running.add(here)) {
                throw stillRunning(key);
            }
            ContentCachingResponseWrapper held = new ContentCachingResponseWrapper(response);
            try {
                answer(key, request, held, chain);
            } finally {
                running.remove(here);
            }
            // Only now: whoever has the answer may repeat the request at once.
            held.copyBodyToResponse();
        } catch (Refused refused) {
            ProblemAnswer.write(refused, request, response);
        }
    }

    private void answer(
            IdempotencyKey key, HttpServletRequest request, ContentCachingResponseWrapper held, FilterChain chain)
            throws IOException {
        Optional<StoredAnswers.Stored> earlier = durably.read(() -> answers.find(key.name()));
        try {
            if (earlier.isEmpty()) {
                earlier = durably.write(() -> afterOtherInstances(key, request, held, chain));
            }
        } catch (NotAccepted refusedByController) {
            logger.debug("nothing stored for a refused request");
        }
        if (earlier.isPresent()) {
            replay(key, earlier.get(), held);
        }
    }

    /** Waits for an instance that is at work on the same key; gives what it answered, else answers. */
    private Optional<StoredAnswers.Stored> afterOtherInstances(
            IdempotencyKey key, HttpServletRequest request, ContentCachingResponseWrapper held, FilterChain chain) {
        durably.hold("idempotency key " + shop.id() + " " + key.name());
        Optional<StoredAnswers.Stored> meanwhile = answers.find(key.name());
        if (meanwhile.isEmpty()) {
            firstTime(key, request, held, chain);
        }
        return meanwhile;
    }

    private void firstTime(
            IdempotencyKey key, HttpServletRequest request, ContentCachingResponseWrapper held, FilterChain chain) {
        forgetTry(request, held);
        answers.claim(key.name(), key.fingerprint());
        try {
            chain.doFilter(request, held);
        } catch (IOException | ServletException e) {
            throw new IllegalStateException(e);
        }
        if (request.getAttribute(DispatcherServlet.EXCEPTION_ATTRIBUTE) instanceof DataAccessException failed) {
            // Already made into an answer; but this write may run once more, and end better.
            throw failed;
        }
        if (held.getStatus() >= 300) {
            throw new NotAccepted();
        }
        answers.keep(
                key.name(),
                new StoredAnswers.Answer(
                        held.getStatus(),
                        held.getContentType(),
                        held.getHeader("Location"),
                        held.getHeader("ETag"),
                        new String(held.getContentAsByteArray(), StandardCharsets.UTF_8)));
    }

    private static void forgetTry(HttpServletRequest request, ContentCachingResponseWrapper held) {
        held.resetBuffer();
        held.setStatus(HttpServletResponse.SC_OK);
        held.setContentType(null);
        request.removeAttribute(DispatcherServlet.EXCEPTION_ATTRIBUTE);
    }

    private static void replay(IdempotencyKey key, StoredAnswers.Stored earlier, HttpServletResponse response)
            throws IOException {
        if (!earlier.fingerprint().equals(key.fingerprint())) {
            throw new Refused(
                    ProblemType.IDEMPOTENCY_KEY_REUSED,
                    "Idempotency-Key: found " + key.name()
                            + " again with another request, expected the same request; use a new"
                            + " key for a new one");
        }
        StoredAnswers.Answer answer = earlier.answer()
                .orElseThrow(() -> new Refused(
                        ProblemType.ANSWER_LOST,
                        "the first request with the Idempotency-Key " + key.name()
                                + " was carried out and is not repeated, but its answer was sealed with another key than the service has"
                                + " now (stayfixed.secret-key); look for what it made"));
        response.setStatus(answer.status());
        response.setHeader("Idempotency-Replayed", "true");
        if (answer.contentType() != null) {
            response.setContentType(answer.contentType());
        }
        if (answer.location() != null) {
            response.setHeader("Location", answer.location());
        }
        if (answer.etag() != null) {
            response.setHeader("ETag", answer.etag());
        }
        response.getOutputStream().write(answer.body().getBytes(StandardCharsets.UTF_8));
    }

    private static Refused stillRunning(IdempotencyKey key) {
        return new Refused(
                ProblemType.IDEMPOTENCY_KEY_IN_USE,
                "the first request with the Idempotency-Key " + key.name()
                        + " is still running; repeat this one in a moment");
    }

    /** Rolls back what a refused request began. */
    private static final class NotAccepted extends RuntimeException {}
}
