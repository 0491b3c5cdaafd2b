export type WindowName = 'hann' | 'hamming' | 'blackman-harris' | 'flat-top' | 'rectangular';
