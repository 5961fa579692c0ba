/** Pictures that cards are drawn for, in pixels; the last is the one that stands for the video in a list. */
export const CARD_SIZES = ['1920x1080', '1080x1920', '3840x2160', '1280x720'] as const;
export type CardSize = (typeof CARD_SIZES)[number];
/** The sizes of the cut. */
export const CUT_SIZES = ['1920x1080', '1080x1920', '3840x2160'] as const satisfies CardSize[];
export type CutSize = (typeof CUT_SIZES)[number];
export const THUMBNAIL_SIZE = '1280x720' satisfies CardSize;

/** A box in pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * Shares of width and height outside the safe areas, on each side: action 3.5 %, graphics 5 % (EBU R 95), which are the
 * 93 % and 90 % of SMPTE ST 2046-1:2009. For upright pictures there is no standard; the same rule is taken.
 */
const MARGIN = { action: 0.035, graphics: 0.05 } as const;

/** Text stands in `graphics`, plates in `action`. */
export interface SafeAreas {
  readonly action: Box;
  readonly graphics: Box;
}

/**
 * The safe areas of a picture, exactly.
 * @example safeAreas(1920, 1080).graphics // { left: 96, top: 54, right: 1824, bottom: 1026 }
 */
export function safeAreas(width: number, height: number): SafeAreas {
  const inside = (share: number): Box => ({
    left: width * share,
    top: height * share,
    right: width * (1 - share),
    bottom: height * (1 - share),
  });
  return { action: inside(MARGIN.action), graphics: inside(MARGIN.graphics) };
}

/** Where and how large a card is laid out. */
export interface CardFrame {
  readonly size: CardSize;
  /** The file's pixels. */
  readonly width: number;
  readonly height: number;
  /** The picture in units of layout, drawn `scale` times as large. */
  readonly base: { readonly width: number; readonly height: number };
  readonly scale: number;
  /** Where text may stand, in units of layout. */
  readonly text: Box;
  /** How far a plate reaches beyond its text on each side, so that it stays within the action-safe area. */
  readonly padding: { readonly x: number; readonly y: number };
  /** The smallest type: its capitals are 2.2 % of the shorter side or more (0.66 of the size in both faces, measured). */
  readonly leastType: number;
  readonly upright: boolean;
}

/** Players draw their controls over the lowest fifth and the right edge of an upright picture (common practice, no source). */
const UPRIGHT = { bottom: 0.8, right: 0.88 } as const;
/** How high capitals are, as a part of the size, in the lower of the two faces (measured). */
const CAPITALS = 0.66;
const LEAST_CAPITALS = 0.022;
/** Letters and their edges hang over their place a little: text stands so far inside its area. */
const INSET = 14;

/**
 * The frame of a size. All but the sizes of 1080 lines are laid out as if they had them.
 * @example cardFrame('3840x2160').scale // 2
 */
export function cardFrame(size: CardSize): CardFrame {
  const [width = 0, height = 0] = size.split('x').map(Number);
  const scale = Math.min(width, height) / 1080;
  const base = { width: width / scale, height: height / scale };
  const upright = base.height > base.width;
  const { action, graphics } = safeAreas(base.width, base.height);
  const text = {
    left: graphics.left + INSET,
    top: graphics.top + INSET,
    right: (upright ? base.width * UPRIGHT.right : graphics.right) - INSET,
    bottom: (upright ? base.height * UPRIGHT.bottom : graphics.bottom) - INSET,
  };
  const padding = {
    x: Math.floor(text.left - action.left),
    y: Math.floor(Math.min(text.top - action.top, action.bottom - text.bottom)),
  };
  const leastType = Math.ceil((LEAST_CAPITALS * 1080) / CAPITALS);
  return { size, width, height, base, scale, text, padding, leastType, upright };
}
