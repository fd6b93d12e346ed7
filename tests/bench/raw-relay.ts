import { WebSocketServer } from 'ws';

/**
 * The floor that the sync socket is measured against: a process that gives every message to every socket and does
 * nothing else. Prints its port.
 */
const server = new WebSocketServer({ port: 0, host: '127.0.0.1', perMessageDeflate: false });
server.on('connection', (socket) => {
  socket.on('message', (data, isBinary) => {
    for (const other of server.clients) other.send(data, { binary: isBinary });
  });
});
server.on('listening', () => {
  const address = server.address();
  if (address && typeof address === 'object') console.log(`port ${address.port}`);
});
process.on('disconnect', () => process.exit());
