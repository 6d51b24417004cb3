// `npm start`: installs what is missing, builds the app, serves it and prints its address.
import { installPackages, requireNode, runTool } from './setup.mjs'

requireNode()
installPackages()
if (runTool('vite/bin/vite.js', ['build', '--logLevel', 'warn']) !== 0) process.exit(1)
console.log('\nTabwright is ready; open the address below. Ctrl+C stops it.')
process.exit(runTool('vite/bin/vite.js', ['preview', '--port', '4180', ...process.argv.slice(2)]))
