/** Renderer names that are a processor drawing triangles, not a graphics card. */
const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render|mesa offscreen|swrast/i;

/** Whether a renderer's name is that of a software renderer; an unknown or hidden name counts as one. */
export function isSoftware(name: string | undefined): boolean {
  return name === undefined || name.trim() === '' || SOFTWARE.test(name);
}

/** Whether this browser draws WebGL on hardware, found out on a throwaway context. */
export function hasHardwareWebGL(): boolean {
  const canvas = document.createElement('canvas');
  const gl = canvas.getContext('webgl', { failIfMajorPerformanceCaveat: true });
  if (gl === null) return false;
  const info = gl.getExtension('WEBGL_debug_renderer_info');
  const name: unknown = gl.getParameter(info === null ? gl.RENDERER : info.UNMASKED_RENDERER_WEBGL);
  gl.getExtension('WEBGL_lose_context')?.loseContext();
  return !isSoftware(typeof name === 'string' ? name : undefined);
}
