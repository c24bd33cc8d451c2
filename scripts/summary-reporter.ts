import type { Reporter, TestModule } from 'vitest/node';

/** Closes a run with one line that any reader of logs can count: `Tests: N passed, N failed, N skipped`. */
export default class SummaryReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const count = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) count[test.result().state]++;
      if (!module.ok() && [...module.children.allTests('failed')].length === 0) count.failed++;
    }
    console.log(`\nTests: ${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped`);
  }
}
