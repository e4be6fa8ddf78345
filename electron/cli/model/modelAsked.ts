export type ModelAsked = {
  readonly folder: string | undefined;
  readonly options: {
    readonly data: string | undefined;
    readonly wallet: string | undefined;
    readonly name: string | undefined;
    readonly by: string | undefined;
    readonly take: string | undefined;
  };
};
