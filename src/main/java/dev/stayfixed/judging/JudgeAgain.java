package dev.stayfixed.judging;

import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * Whether a start judges every vehicle anew.
 *
 * @param judgeAgain also those that this very program has judged
 */
@ConfigurationProperties("stayfixed")
record JudgeAgain(boolean judgeAgain) {}
