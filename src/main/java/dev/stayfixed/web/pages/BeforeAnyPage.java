package dev.stayfixed.web.pages;

import dev.stayfixed.platform.problem.FullDisk;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.jspecify.annotations.Nullable;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.ErrorResponse;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.servlet.HandlerExceptionResolver;
import org.springframework.web.servlet.ModelAndView;

/**
 * Answers with a page where a request failed before it reached one: an address that does not exist, or a form that cannot be read.
 * Programs, which call the REST interface or do not ask for HTML, get a problem as ever.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class BeforeAnyPage implements HandlerExceptionResolver {

    private final PageErrors errors;

    BeforeAnyPage(PageErrors errors) {
        this.errors = errors;
    }

    @Override
    public @Nullable ModelAndView resolveException(
            HttpServletRequest request, HttpServletResponse response, @Nullable Object handler, Exception e) {
        if (request.getRequestURI().startsWith("/api/")) {
            return null;
        }
        ModelAndView page = page(request, response, e);
        if (page != null) {
            PageHeaders.protect(response);
        }
        return page;
    }

    private @Nullable ModelAndView page(HttpServletRequest request, HttpServletResponse response, Exception e) {
        if ((e instanceof InvalidParameterException || e instanceof MultipartException) && FullDisk.isBehind(e)) {
            return errors.refused(FullDisk.refusal(e), response);
        }
        if (e instanceof InvalidParameterException unread) {
            return unread.getErrorCode() == HttpStatus.CONTENT_TOO_LARGE.value()
                    ? errors.tooLarge()
                    : errors.unreadable();
        }
        if (e instanceof MultipartException) {
            return errors.unreadable();
        }
        String accept = request.getHeader("Accept");
        return e instanceof ErrorResponse known
                        && known.getStatusCode().is4xxClientError()
                        && accept != null
                        && accept.contains("text/html")
                ? errors.notTaken(known.getStatusCode().value())
                : null;
    }
}
