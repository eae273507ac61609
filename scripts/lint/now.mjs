// A rule of the linter: a core file that makes the date of now has not been given the time.
const nowInCore = {
  create: (context) => ({
    NewExpression(node) {
      if (node.callee.name === 'Date' && node.arguments.length === 0)
        context.report({ node, message: 'Time is an argument of the core.' });
    },
  }),
};

export default { meta: { name: 'core' }, rules: { 'no-now': nowInCore } };
