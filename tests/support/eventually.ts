/**
 * What a page comes to after a while, however busy the machine: looked at again until it holds, or its failure stands.
 */
export async function eventually(check: () => Promise<void>, patience_ms = 60_000): Promise<void> {
  const end = Date.now() + patience_ms;
  for (;;) {
    try {
      await check();
      return;
    } catch (failure) {
      if (Date.now() > end) throw failure;
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}
