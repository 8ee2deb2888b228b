/** A plugin of the bundler: modules in whose place something plain does. @param filter of the names by which they are imported */
export const inPlaceOf = (name, filter, contents) => ({
  name,
  setup(building) {
    building.onResolve({ filter }, ({ path }) => ({ path, namespace: name }));
    building.onLoad({ filter: /.*/, namespace: name }, () => ({ contents }));
  },
});
