export type ModelAsked = {
  readonly folder: string | undefined;
  readonly options: {
    readonly data?: string;
    readonly wallet?: string;
    readonly name?: string;
    readonly by?: string;
    readonly take?: string;
  };
};
