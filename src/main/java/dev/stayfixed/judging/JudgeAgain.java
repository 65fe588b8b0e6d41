package dev.stayfixed.judging;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * What a start judges anew, and when.
 *
 * @param judgeAgain also vehicles that this very program has judged
 * @param judgeAgainAfter from the start on, so that those who have waited for it are served first
 * @param judgeAgainRetry until the database, where it was away, is asked once more
 */
@ConfigurationProperties("stayfixed")
record JudgeAgain(
        boolean judgeAgain,
        @DefaultValue("2s") Duration judgeAgainAfter,
        @DefaultValue("1m") Duration judgeAgainRetry) {}
