package dev.stayfixed.platform.problem;

import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** Errors that the servlet container found itself. */
@Hidden
@RestController
class ProblemErrorController implements ErrorController {

    @RequestMapping("${spring.web.error.path:/error}")
    ResponseEntity<Problem> error(HttpServletRequest request) {
        Object code = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE);
        int status = code instanceof Integer known && known >= 400 ? known : 404;
        ProblemType type = ProblemType.ofStatus(status);
        return ResponseEntity.status(status)
                .header(RequestId.HEADER, RequestId.of(request))
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(Problem.of(type, status, type.meaning() + " " + type.remedy(), RequestId.instance(request)));
    }
}
