package dev.stayfixed.platform.problem;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.TypeMismatchException;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.validation.FieldError;
import org.springframework.web.ErrorResponse;
import org.springframework.web.bind.MethodArgumentNotValidException;
import org.springframework.web.bind.MissingRequestValueException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;
import tools.jackson.core.JacksonException;

/** Turns whatever a controller throws into a problem of the catalogue. */
@RestControllerAdvice
class ProblemAdvice extends ResponseEntityExceptionHandler {

    private static final Logger LOG = LoggerFactory.getLogger(ProblemAdvice.class);

    @ExceptionHandler
    ResponseEntity<Object> refused(Refused refused, WebRequest request) {
        HttpHeaders headers = new HttpHeaders();
        refused.type().retryAfter().ifPresent(s -> headers.set(HttpHeaders.RETRY_AFTER, Integer.toString(s)));
        return answer(Problem.of(refused, instance(request)), headers);
    }

    /** A part of a write that may run once more; only if that is of no use does this answer go out. */
    @ExceptionHandler
    ResponseEntity<Object> overtaken(ConcurrencyFailureException e, WebRequest request) {
        ProblemType busy = ProblemType.BUSY;
        return answer(Problem.of(busy, busy.status(), busy.meaning(), instance(request)), HttpHeaders.EMPTY);
    }

    @ExceptionHandler
    ResponseEntity<Object> unexpected(Exception e, WebRequest request) {
        if (FullDisk.isBehind(e)) {
            LOG.error("a disk is full", e);
            return refused(FullDisk.refusal(e), request);
        }
        LOG.error("unexpected failure at {}", pattern(request), e);
        return answer(
                Problem.of(
                        ProblemType.INTERNAL_ERROR,
                        500,
                        "the service made a mistake and wrote it to its log; nothing of this request was stored",
                        instance(request)),
                HttpHeaders.EMPTY);
    }

    @Override
    protected @Nullable ResponseEntity<Object> handleMethodArgumentNotValid(
            MethodArgumentNotValidException e, HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        List<Mistake> mistakes = e.getBindingResult().getAllErrors().stream()
                .map(error -> error instanceof FieldError field
                        ? new Mistake(field.getField(), field.getRejectedValue(), text(field.getDefaultMessage()))
                        : new Mistake("", null, text(error.getDefaultMessage())))
                .toList();
        return refused(Refused.content(mistakes), request);
    }

    @Override
    protected @Nullable ResponseEntity<Object> handleHttpMessageNotReadable(
            HttpMessageNotReadableException e, HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        return refused(
                e.getCause() instanceof JacksonException json
                        ? JsonMistakes.explain(json)
                        : new Refused(
                                ProblemType.MALFORMED_JSON,
                                "the body: found nothing, expected one JSON object in UTF-8"),
                request);
    }

    @Override
    protected @Nullable ResponseEntity<Object> handleTypeMismatch(
            TypeMismatchException e, HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        if (e instanceof MethodArgumentTypeMismatchException argument
                && argument.getParameter().hasParameterAnnotation(PathVariable.class)) {
            return refused(
                    new Refused(
                            ProblemType.NOT_FOUND,
                            "no resource has this address: its last id is not one that this service gives"),
                    request);
        }
        Mistake mistake =
                new Mistake(e.getPropertyName() == null ? "parameter" : e.getPropertyName(), e.getValue(), expected(e));
        return refused(new Refused(ProblemType.INVALID_PARAMETER, mistake.sentence()), request);
    }

    @Override
    protected @Nullable ResponseEntity<Object> handleExceptionInternal(
            Exception e, @Nullable Object body, HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        ProblemType type = e instanceof MissingRequestValueException
                ? ProblemType.INVALID_PARAMETER
                : ProblemType.ofStatus(status.value());
        if (status.is5xxServerError()) {
            return unexpected(e, request);
        }
        String detail = e instanceof ErrorResponse known && known.getBody().getDetail() != null
                ? known.getBody().getDetail() + " " + type.remedy()
                : type.meaning() + " " + type.remedy();
        return answer(Problem.of(type, status.value(), detail, instance(request)), headers);
    }

    private static ResponseEntity<Object> answer(Problem problem, HttpHeaders headers) {
        return ResponseEntity.status(problem.status())
                .headers(headers)
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(problem);
    }

    private static String expected(TypeMismatchException e) {
        Class<?> type = e.getRequiredType();
        if (type != null && type.isEnum()) {
            return "one of " + List.of(type.getEnumConstants());
        }
        return type == Integer.class || type == int.class ? "a whole number" : "a value of the documented form";
    }

    private static String text(@Nullable String message) {
        return message == null ? "another value" : message;
    }

    private static String instance(WebRequest request) {
        return RequestId.instance(((ServletWebRequest) request).getRequest());
    }

    /** Where it was, without the parts of the address that may be secret, such as the token of a link. */
    private static String pattern(WebRequest request) {
        Object pattern =
                request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE, RequestAttributes.SCOPE_REQUEST);
        return ((ServletWebRequest) request).getRequest().getMethod() + " "
                + (pattern == null ? "no address" : pattern);
    }
}
