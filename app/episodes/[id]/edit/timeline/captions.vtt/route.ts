import { captionsFile, type Context } from '../../_timeline/files';

/** Captions as WebVTT. */
export async function GET(request: Request, context: Context): Promise<Response> {
  return captionsFile(request, context, 'webvtt', 'text/vtt; charset=utf-8', 'vtt');
}
