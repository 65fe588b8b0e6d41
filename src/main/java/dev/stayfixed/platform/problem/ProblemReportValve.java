package dev.stayfixed.platform.problem;

import java.io.IOException;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ErrorReportValve;

/** Requests so broken that no application sees them are still answered with a problem. */
public final class ProblemReportValve extends ErrorReportValve {

    @Override
    protected void report(Request request, Response response, Throwable throwable) {
        int status = response.getStatus();
        if (status < 400 || response.getContentWritten() > 0 || !response.setErrorReported()) {
            return;
        }
        ProblemType type = ProblemType.ofStatus(status);
        String id = RequestId.of(request.getRequest());
        byte[] body = Problem.of(type, status, type.meaning() + " " + type.remedy(), RequestId.uri(id))
                .json();
        try {
            response.setContentType(Problem.MEDIA_TYPE);
            response.setHeader(RequestId.HEADER, id);
            response.setHeader("X-Content-Type-Options", "nosniff");
            response.setHeader("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'");
            response.getOutputStream().write(body);
            response.finishResponse();
        } catch (IOException e) {
            container.getLogger().debug("the client left before it was told", e);
        }
    }
}
